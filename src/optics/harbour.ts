import harbourSet from '../../shared/tables/harbour-set.json' with { type: 'json' };

/**
 * Where every calculator begins: the harbour set's value for an input, as a number in the unit the file writes it in.
 * A test holds each record's unit against the file's.
 * Throws: Error for an id the harbour set lacks.
 * @example start('focal-length') // 85, from "85 mm"
 */
export const start = (id: string): number => {
  const text = startText(id);
  const [over = '', under = '1'] = text.replace('f/', '').split('/');
  const number = Number.parseFloat(over) / Number.parseFloat(under);
  if (Number.isNaN(number))
    throw new Error(`The harbour set’s ${id} is “${text}”, not a quantity.`);
  return number;
};

/** The same for a choice: the harbour set's id for it. */
export const startText = (id: string): string => {
  const text: string | undefined = (harbourSet.starts as Readonly<Record<string, string>>)[id];
  if (text === undefined)
    throw new Error(
      `shared/tables/harbour-set.json has no start for ${id}: add one, in the unit of the input.`,
    );
  return text;
};

/**
 * Where the harbour set's lights stand that no calculator begins with, in metres.
 * Throws: Error for an id the harbour set lacks.
 * @example placeOfLight('rim-behind') // 1.1
 */
export const placeOfLight = (id: string): number => {
  const found = harbourSet.lights.find((one) => one.id === id);
  if (!found) throw new Error(`shared/tables/harbour-set.json places no light by ${id}.`);
  return Number.parseFloat(found.value);
};
