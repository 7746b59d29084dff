/** The card’s choices in the address, and back; without it the page works all the same. */
const page = document.querySelector<HTMLElement>('[data-card]');
const said = page?.querySelector('[data-card-said]');

if (page) {
  const radios = [...page.querySelectorAll<HTMLInputElement>('input[type=radio]')];
  const query = new URLSearchParams(location.search);
  const strange: string[] = [];
  for (const [name, value] of query) {
    const wanted = radios.find((radio) => radio.name === name && radio.value === value);
    if (wanted && query.getAll(name).length === 1) wanted.checked = true;
    else strange.push(name.slice(0, 20));
  }
  if (said && strange.length > 0)
    said.textContent = `The link’s ${[...new Set(strange)].slice(0, 3).join(', ')} could not be used; what stood there before stands there still.`;

  page.addEventListener('change', () => {
    const chosen = radios.filter(({ checked }) => checked);
    const state = new URLSearchParams(chosen.map(({ name, value }) => [name, value]));
    history.replaceState(history.state, '', `?${state.toString()}`);
    const tables = chosen.slice(0, 3).map(({ value }) => value);
    if (said)
      said.textContent =
        new Set(tables).size < 3
          ? 'One table was chosen for two faces; it stands on one of them only.'
          : '';
  });
  page.querySelector('[data-card-print]')?.addEventListener('click', () => {
    window.print();
  });
}
