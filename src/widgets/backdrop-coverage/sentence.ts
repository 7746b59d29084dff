import type { Results } from '../../formula/record.ts';
import type { Sentence, Show } from '../parts/calculator.ts';

/** Whether the backdrop is wide and tall enough, with the number that says by how much. */
const enough = (given: Readonly<Record<string, unknown>>, results: Results, show: Show): string => {
  const [side, top] = [results['spareSide'], results['spareTop']] as (number | undefined)[];
  const margin = given['margin'] === 0 ? '' : `, its ${show.given('margin')} margin kept`;
  const said: string[] = [];
  if (side !== undefined) {
    const where = given['e'] === 0 ? 'on each side' : 'on the side the child is nearer to';
    said.push(
      side < 0
        ? `A backdrop ${show.given('width')} wide is ${show.length(-side)} short ${where}${margin}.`
        : `A backdrop ${show.given('width')} wide leaves ${show.length(side)} to spare ${where}${margin}.`,
    );
  }
  if (top !== undefined && top < 0) said.push(`It is ${show.length(-top)} short at the top.`);
  return said.join(' ');
};

/** What shows under the frame's lower edge, where that is more than backdrop. */
const floor = (results: Results, show: Show): string => {
  const lower = results['lowerEdge'];
  return typeof lower === 'number' && lower < 0
    ? `The floor shows, from ${show.result('floorDistance')} in front of the camera on: it fills the lowest ${show.result('floorLine')} of the frame up to the backdrop’s foot.`
    : '';
};

/** How much backdrop the frame shows, and whether there is enough of it. */
export const sentence: Sentence = (given, results, show) => [
  {
    text: `${show.given('f')} at ${show.given('s')}, the backdrop ${show.given('b')} behind the child, shows `,
  },
  { text: show.result('viewWidth'), main: true },
  {
    text: [' of it across.', enough(given, results, show), floor(results, show)]
      .filter(Boolean)
      .join(' '),
  },
];
