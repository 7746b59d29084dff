// Before the first paint: the theme chosen, and a mark that scripts work.
(() => {
  const root = document.documentElement;
  root.setAttribute('data-script', '');
  try {
    const theme = JSON.parse(localStorage.getItem('sbn:theme:v1') ?? 'null');
    if (theme === 'light' || theme === 'dark') root.setAttribute('data-theme', theme);
  } catch {
    // Storage refused or damaged: the system's theme stands.
  }
})();
