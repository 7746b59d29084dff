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
