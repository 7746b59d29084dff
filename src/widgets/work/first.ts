/** A page without an assignment says so before anything else is fetched: there is nothing to wait for. */
const message = document.querySelector('[data-work-said]');
if (message && location.search === '')
  message.textContent =
    'This page was opened without an assignment. Use the whole link, or open a saved file.';
