// Runs before the first paint: the reader's theme, and a mark that scripts work.
// Reading only; what the reader chooses is written by the storage module.
(function () {
  const root = document.documentElement;
  root.setAttribute('data-script', '');
  try {
    const kept = JSON.parse(localStorage.getItem('sbn:theme:v1') ?? 'null');
    if (kept === 'light' || kept === 'dark') root.setAttribute('data-theme', kept);
  } catch {
    // Storage refused or damaged: the system's theme stands.
  }
})();
