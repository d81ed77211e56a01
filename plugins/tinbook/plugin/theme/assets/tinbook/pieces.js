// How many pieces a batter gives, and how much batter they need: the same as engine/pieces.py.
import { wholePieces } from "./rounding.js";

// The share `lost` stays in the bowl.
export function piecesFrom(batter, size, lost) {
  const out = batter * (1 - lost);
  const count = wholePieces(out, size);
  return { count, left: Math.max(0, out - count * size) };
}

export const batterFor = (count, size, lost) => (count * size) / (1 - lost);
