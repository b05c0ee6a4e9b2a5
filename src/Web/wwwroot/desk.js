// Digits choose an answer and Enter goes on where a page offers it; its buttons do the same.
document.addEventListener('keydown', event => {
  if (event.ctrlKey || event.altKey || event.metaKey || event.target.closest('input, textarea, select')) return;
  if (event.key === 'Enter' && document.activeElement?.matches('a, button, summary')) return;
  const wanted = document.querySelector(`[data-key="${CSS.escape(event.key)}"]`);
  if (!wanted) return;
  event.preventDefault();
  wanted.click();
});
// Passkeys are the one thing a page cannot do without script; everything else works with this file blocked, progress by loading the page again.
const ask = async (form, url) => {
  const token = form.querySelector('input[name="__RequestVerificationToken"]');
  const response = await fetch(url, { method: 'POST', body: new URLSearchParams({ __RequestVerificationToken: token.value }) });
  if (!response.ok) throw new Error(response.statusText);
  return response.json();
};
for (const form of document.querySelectorAll('form[data-passkey]')) {
  if (!window.PublicKeyCredential?.parseCreationOptionsFromJSON) { form.hidden = true; continue; }
  form.addEventListener('submit', async event => {
    event.preventDefault();
    try {
      const options = await ask(form, form.getAttribute('action') + '/options');
      const credential = form.dataset.passkey === 'make'
        ? await navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(options) })
        : await navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(options) });
      form.querySelector('input[name="credential"]').value = JSON.stringify(credential);
      form.submit();
    } catch (fault) {
      form.querySelector('button').textContent = 'The passkey was not given; try again';
    }
  });
}
const follow = document.querySelector('[data-follow]');
if (follow) {
  const look = async () => {
    try {
      const page = new DOMParser().parseFromString(await (await fetch(location.href)).text(), 'text/html');
      const now = page.querySelector('[data-follow]');
      if (!now) { location.reload(); return; }
      for (const part of ['[role="status"]', 'ol']) follow.querySelector(part).innerHTML = now.querySelector(part).innerHTML;
    } catch { /* the desk may be away for a moment */ }
    setTimeout(look, 1000);
  };
  setTimeout(look, 1000);
}
