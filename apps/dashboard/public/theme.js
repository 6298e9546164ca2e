// Runs before the first paint, so that a stored choice of light or dark never flashes the other one.
try {
  const choice = localStorage.getItem('hubwright.theme');
  if (choice === 'light' || choice === 'dark') document.documentElement.dataset.theme = choice;
} catch {
  // Storage may be forbidden; the system's choice then stands.
}
