// How many pieces a batter gives, and how much batter they need: the same as engine/pieces.py.
import { wholePieces } from "./rounding.js";

// The share `lost` stays in the bowl.
export function piecesFrom(batter, each, lost) {
  const out = batter * (1 - lost);
  const count = wholePieces(out, each);
  return { count, left: Math.max(0, out - count * each) };
}

export const batterFor = (count, each, lost) => (count * each) / (1 - lost);
