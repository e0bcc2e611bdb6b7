/** All that a device sees before it is paired. Without script the secret is typed; with it, it is read off the address. */
export const pairingPage = (says: string): string => `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Armwright: pair this device</title>
<link rel="stylesheet" href="/pair.css">
<script src="/pair.js" defer></script>
</head>
<body>
<main>
<h1>Armwright</h1>
<p id="says" role="status">${says}</p>
<form method="post" action="/pair">
<label for="secret">Pairing secret</label>
<input id="secret" name="secret" autocomplete="off" autocapitalize="characters" spellcheck="false" required maxlength="40">
<button>Pair this device</button>
</form>
</main>
</body>
</html>
`;

export const PAIRING_HINT =
  "This device is not paired yet. Scan the code that Armwright shows on the other machine, or type the secret beneath it.";
export const PAIRING_WRONG =
  "That secret is not known, or was used already: each pairs one device. Use the newest one that Armwright shows.";

export const PAIRING_SCRIPT = `const secret = location.hash.slice(1);
if (secret) {
  history.replaceState(null, "", location.pathname);
  document.getElementById("secret").value = secret;
  document.querySelector("form").submit();
}
`;

export const PAIRING_STYLE = `:root { color-scheme: light dark; font: 1.125rem/1.4 system-ui, sans-serif; }
body { margin: 0; background: #F3EEE2; color: #19242B; }
main { max-width: 26rem; margin: 0 auto; padding: 2rem 1rem; }
label { display: block; }
input, button { box-sizing: border-box; width: 100%; min-height: 3rem; font: inherit; margin-top: .5rem; padding: 0 .75rem;
  border: 2px solid currentColor; background: transparent; color: inherit; }
@media (prefers-color-scheme: dark) { body { background: #0F2234; color: #E9E6DA; } }
`;
