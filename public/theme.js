// Runs before the first paint: the reader's theme, the reader's kit as it is kept, and a mark that scripts work.
// Reading only; what the reader chooses is written by the storage module.
(function () {
  const root = document.documentElement;
  root.setAttribute('data-script', '');
  try {
    const kit = localStorage.getItem('sbn:kit:v1');
    if (kit) root.setAttribute('data-kit', kit);
    const kept = JSON.parse(localStorage.getItem('sbn:theme:v1') ?? 'null');
    if (kept === 'light' || kept === 'dark') root.setAttribute('data-theme', kept);
  } catch {
    // Storage refused or damaged: the system's theme stands.
  }
})();
