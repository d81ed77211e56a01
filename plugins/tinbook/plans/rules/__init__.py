"""Rules between fields and between files. Each returns flaws; none raises."""
