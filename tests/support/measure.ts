/** What sticks out of the window sideways, as selectors with widths. Runs in the page. */
export function sticksOut(): string[] {
  const width = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth <= width) return [];
  return [...document.querySelectorAll('body *')]
    .filter((element) => {
      const box = element.getBoundingClientRect();
      return box.width > 0 && box.right > width + 0.5;
    })
    .slice(0, 5)
    .map((element) => {
      const right = Math.round(element.getBoundingClientRect().right);
      return `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''} ends at ${right} of ${width}`;
    })
    .concat(`the page is ${document.documentElement.scrollWidth} wide in ${width}`);
}

/** Text that its own box cuts off. Runs in the page. */
export function cutOff(): string[] {
  return [...document.querySelectorAll('body *')]
    .filter((element) => {
      const style = getComputedStyle(element);
      const hidden =
        [style.overflowX, style.overflowY].includes('hidden') || style.overflowX === 'clip';
      const forEars = element.clientWidth <= 1 || element.clientHeight <= 1;
      return (
        hidden &&
        !forEars &&
        element.namespaceURI === 'http://www.w3.org/1999/xhtml' &&
        element.textContent.trim() !== '' &&
        (element.scrollWidth > element.clientWidth + 1 ||
          element.scrollHeight > element.clientHeight + 1)
      );
    })
    .map(
      (element) =>
        `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''}: ${element.textContent.trim().slice(0, 40)}`,
    );
}

/** Controls smaller than 24 pixels either way, those within a line of text excepted. Runs in the page. */
export function tooSmall(): string[] {
  const controls =
    'button, input:not([type=hidden]), select, summary, [role=button], [role=slider], [role=tab]';
  return [...document.querySelectorAll<HTMLElement>(controls)]
    .filter((control) =>
      control.checkVisibility({ visibilityProperty: true, opacityProperty: true }),
    )
    .filter((control) => {
      const inLine = getComputedStyle(control).display === 'inline';
      const around = control.parentElement?.textContent.trim().length ?? 0;
      return !(inLine && around > control.textContent.trim().length);
    })
    .flatMap((control) => {
      const kind = control.getAttribute('type') ?? '';
      const label = ['checkbox', 'radio'].includes(kind) ? control.closest('label') : null;
      const { width, height } = (label ?? control).getBoundingClientRect();
      return Math.min(width, height) >= 23.99
        ? []
        : [
            `${control.tagName.toLowerCase()} ${control.id || control.textContent.trim().slice(0, 30)} is ${width.toFixed(0)} x ${height.toFixed(0)}`,
          ];
    });
}

/** Colours of the paper and of all ink on it, as the screen would mix them, from 0 (black) to 1 (white). Runs in the page. */
export function lightness(): { paper: number; inks: number[] } {
  const canvas = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
  if (canvas === null) throw new Error('This browser has no canvas.');
  const of = (colour: string): number => {
    canvas.clearRect(0, 0, 1, 1);
    canvas.fillStyle = '#fff';
    canvas.fillRect(0, 0, 1, 1);
    canvas.fillStyle = colour;
    canvas.fillRect(0, 0, 1, 1);
    const [r = 0, g = 0, b = 0] = canvas.getImageData(0, 0, 1, 1).data;
    return (0.2126 * r + 0.7152 * g + 0.0722 * b) / 255;
  };
  const inked = [
    ...document.querySelectorAll('main :is(h1, h2, h3, p, li, td, th, dt, dd, mn, mi)'),
  ];
  return {
    paper: of(getComputedStyle(document.body).backgroundColor),
    inks: inked
      .filter((element) => element.checkVisibility())
      .map((element) => of(getComputedStyle(element).color)),
  };
}

/** What moves on a page by itself. Runs in the page. */
export function stillMoving(): { animations: number; scroll: string } {
  return {
    animations: document
      .getAnimations()
      .filter((one) => Number(one.effect?.getComputedTiming().duration ?? 0) > 1).length,
    scroll: getComputedStyle(document.documentElement).scrollBehavior,
  };
}

/** Fields of plates that have lost their edges, and drawings that have lost all ink. Runs in the page. */
export function inForcedColours(): { active: boolean; bare: string[]; blank: number } {
  const paper = getComputedStyle(document.body).backgroundColor;
  const edged = (element: Element): boolean => {
    const { borderTopWidth, borderBottomWidth, appearance } = getComputedStyle(element);
    return (
      appearance !== 'none' ||
      [borderTopWidth, borderBottomWidth].some((width) => parseFloat(width) > 0)
    );
  };
  const inked = (shape: Element): boolean => {
    const { fill, stroke } = getComputedStyle(shape);
    return [fill, stroke].some((colour) => colour !== 'none' && colour !== paper);
  };
  const all = (selector: string): Element[] => [...document.querySelectorAll(selector)];
  const shapes = 'path, line, rect, circle, polygon, polyline';
  return {
    active: matchMedia('(forced-colors: active)').matches,
    bare: all('[data-plate] :is(input:not([type=range]), select)')
      .filter((field) => field.checkVisibility() && !edged(field))
      .map((field) => field.outerHTML.slice(0, 120)),
    blank: all('[data-plate] svg').filter((svg) => ![...svg.querySelectorAll(shapes)].some(inked))
      .length,
  };
}
