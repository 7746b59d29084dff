/** All of search there is before somebody searches: it waits for the field to be used. */
const form = document.querySelector<HTMLFormElement>('[data-search]');
const field = form?.querySelector('input');

if (form && field) {
  let asked = false;
  const start = (): void => {
    if (asked) return;
    asked = true;
    import('./live.ts').then(
      ({ live }) => live(form, field),
      () => {
        asked = false;
        const status = document.querySelector('[data-search-status]');
        if (status)
          status.textContent =
            'The search could not be fetched. Try again, or look in the lists below.';
      },
    );
  };
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    start();
  });
  field.addEventListener('focus', start);
  field.addEventListener('input', start);
  if (new URLSearchParams(location.search).has('q') || document.activeElement === field) start();
}
