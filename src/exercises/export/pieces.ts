import { holds, type Span } from '../span.ts';
import type { Key } from '../variant.ts';

/** A stretch of values that one wrong turn takes. Its place is the turn’s. */
export interface Piece {
  readonly span: Span;
  readonly turn: number;
}

/** As `holds` has it: the ends belong to a span whatever the last bit says. */
const HAIR = 1e-9;

/**
 * The spans of wrong turns cut so that none overlap: where two meet, each value goes to the turn it lies nearer to, as
 * marking has it. Course systems take the first answer that fits and know no nearest one.
 */
export const piecesOf = (turns: Key['turns']): readonly Piece[] => {
  const takes = (x: number): number | undefined =>
    turns
      .map(({ value, span }, turn) => ({ span, turn, off: Math.abs(value - x) }))
      .filter(({ span }) => holds(span, x))
      .sort((a, b) => a.off - b.off)[0]?.turn;
  const middles = turns.flatMap((a, i) => turns.slice(i + 1).map((b) => (a.value + b.value) / 2));
  const cuts = [...new Set([...turns.flatMap(({ span }) => span), ...middles])].sort(
    (a, b) => a - b,
  );
  const found: { low: number; high: number; turn: number }[] = [];
  cuts.slice(1).forEach((high, i) => {
    const low = cuts[i] ?? high;
    const turn = takes((low + high) / 2);
    const last = found.at(-1);
    if (turn === undefined) return;
    if (last?.turn === turn && last.high === low) last.high = high;
    else found.push({ low, high, turn });
  });
  const hair = (end: number, turn: number): number =>
    (takes(end) === turn ? HAIR : -HAIR) * Math.abs(end);
  return found
    .map(({ low, high, turn }): Piece => {
      const span: Span = [low - hair(low, turn), high + hair(high, turn)];
      return { span, turn };
    })
    .filter(({ span }) => span[0] < span[1]);
};

/** A span with the hair of room at its ends that marking gives it. */
export const withHair = ([low, high]: Span): Span => {
  const room = HAIR * Math.max(Math.abs(low), Math.abs(high));
  return [low - room, high + room];
};
