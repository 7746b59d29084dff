// Before the first paint: the theme chosen, the kit as it is kept, and a mark that scripts work.
(() => {
  const root = document.documentElement;
  root.setAttribute('data-script', '');
  try {
    const kit = localStorage.getItem('sbn:kit:v1');
    if (kit) root.setAttribute('data-kit', kit);
    const theme = JSON.parse(localStorage.getItem('sbn:theme:v1') ?? 'null');
    if (theme === 'light' || theme === 'dark') root.setAttribute('data-theme', theme);
  } catch {
    // Storage refused or damaged: the system's theme stands.
  }
})();
