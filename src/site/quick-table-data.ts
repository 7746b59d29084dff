import gels from '../../shared/tables/gels.json' with { type: 'json' };
import harbourSet from '../../shared/tables/harbour-set.json' with { type: 'json' };
import papers from '../../shared/tables/papers.json' with { type: 'json' };
import type { SHARED } from './quick-table-file.ts';

export interface SharedLine {
  readonly id: string;
  readonly label: string;
  readonly given: Readonly<Record<string, string>>;
}

const metres = (text: string): number => Number.parseFloat(text);

/** How tall a frame each shot takes, from the child's standing height. */
const shots = (): readonly SharedLine[] => {
  const standing = harbourSet.bodies.find(({ id }) => id === 'standing-height');
  if (!standing) throw new Error('shared/tables/harbour-set.json has no standing-height.');
  return harbourSet.shots.map(({ id, name, times }) => ({
    id,
    label: name,
    given: { 'frame-height': `${(metres(standing.value) * Number(times)).toFixed(3)} m` },
  }));
};

/** Conversion gels with a printed shift, and what they let through of daylight. */
const conversions = (): readonly SharedLine[] =>
  gels.gels.flatMap((gel) => {
    const through = gel.under.find(({ light }) => light === 'daylight');
    return gel.kind === 'conversion' && 'printed' in gel && through
      ? [
          {
            id: gel.id,
            label: gel.name,
            given: { 'gel-shift': `${String(gel.printed)} mired`, transmission: String(through.Y) },
          },
        ]
      : [];
  });

const sheets = (): readonly SharedLine[] =>
  papers.papers.map(({ id, name, unit, short, long }) => ({
    id,
    label: name,
    given: {
      'print-width': `${String(short)} ${unit}`,
      'print-height': `${String(long)} ${unit}`,
    },
  }));

/** Lines read from shared data, by what they are. */
export const sharedLines: Readonly<Record<(typeof SHARED)[number], () => readonly SharedLine[]>> = {
  shots,
  gels: conversions,
  papers: sheets,
};
