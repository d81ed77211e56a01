export function offline() {}
