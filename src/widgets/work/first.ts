/** A page without an assignment says so before anything else is fetched: there is nothing to wait for. */
const word = document.querySelector('[data-work-said]');
if (word && location.search.length < 2)
  word.textContent =
    'This page was opened without an assignment. Use the whole link, or open a saved file.';
