import type { Given, Results } from '../../formula/record.ts';
import type { Sentence, Show } from '../parts/calculator.ts';

/** Whether the backdrop is wide and tall enough, with the number that says by how much. */
const enough = (given: Given, results: Results, show: Show): string => {
  const [side, top] = [results['spareSide'], results['spareTop']] as (number | undefined)[];
  const where = given['e'] === 0 ? 'on each side' : 'on the side the child sits nearer to';
  const kept = given['margin'] === 0 ? '' : `, ${show.given('margin')} of margin kept`;
  const wide =
    side === undefined
      ? ''
      : `: ${show.length(Math.abs(side))} ${side < 0 ? 'short' : 'to spare'} ${where}${kept}`;
  return `${wide}.${top !== undefined && top < 0 ? ` It is ${show.length(-top)} short at the top.` : ''}`;
};

/** What shows under the backdrop, where the frame reaches below its foot. */
const floor = (results: Results, show: Show): string => {
  const lower = results['lowerEdge'];
  return typeof lower === 'number' && lower < 0
    ? ` The lowest ${show.result('floorLine')} of the frame is floor, from ${show.result('floorDistance')} in front of the camera.`
    : '';
};

/** How much backdrop the frame shows, and whether there is enough of it. */
export const sentence: Sentence = (given, results, show) => [
  { text: `${show.given('b')} behind the child, ${show.given('f')} shows ` },
  { text: show.result('viewWidth'), main: true },
  { text: ` of backdrop across${enough(given, results, show)}${floor(results, show)}` },
];
