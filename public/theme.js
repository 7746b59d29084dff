// Runs before the first paint: the reader's theme, and a mark that scripts work.
// Reading only; what the reader chooses is written by the storage module.
(function () {
  var root = document.documentElement;
  root.dataset.script = '';
  try {
    var kept = JSON.parse(localStorage.getItem('sbn:theme:v1'));
    if (kept === 'light' || kept === 'dark') root.dataset.theme = kept;
  } catch {
    // Storage refused or damaged: the system's theme stands.
  }
})();
