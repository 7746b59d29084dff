/** What each key does in a plate. A test presses every one of them in a browser. */
export const keyboard = [
  {
    id: 'tab',
    keys: 'Tab',
    where: 'any part',
    does: 'goes on to the next field, slider, preset or tool, in reading order',
  },
  {
    id: 'type',
    keys: 'digits and units',
    where: 'a field',
    does: 'computes at once; nothing is lost when the text cannot be used',
  },
  {
    id: 'arrow',
    keys: 'Right or Up, Left or Down',
    where: 'a slider',
    does: 'adds or takes one step, shown in the field above',
  },
  {
    id: 'page',
    keys: 'Page Up, Page Down',
    where: 'a slider',
    does: 'goes a tenth of the slider at once',
  },
  {
    id: 'ends',
    keys: 'Home, End',
    where: 'a slider',
    does: 'goes to the least and the greatest value of the slider',
  },
  {
    id: 'radio',
    keys: 'arrow keys',
    where: 'a choice of few',
    does: 'chooses the next or the one before',
  },
  {
    id: 'list',
    keys: 'Up, Down',
    where: 'a list such as the formats',
    does: 'chooses the next or the one before',
  },
  {
    id: 'press',
    keys: 'Enter or Space',
    where: 'a preset, a tool, “More settings”',
    does: 'presses it',
  },
  {
    id: 'ask',
    keys: 'Enter',
    where: 'the value asked with',
    does: 'works out the input that gives it',
  },
] as const;
