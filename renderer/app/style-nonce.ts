declare global {
  /** Read by the component library's scroll lock, which makes a style element of its own. */
  var __webpack_nonce__: string | undefined;
}

/**
 * The nonce that styles made at run time must carry, put into the start page by the shell that serves it. Empty where
 * there is no shell (tests), which asks for no nonce. Hand it to the component library's provider.
 */
export function styleNonce(): string {
  const nonce = document.querySelector<HTMLMetaElement>('meta[name="style-nonce"]')?.content ?? '';
  if (nonce !== '') globalThis.__webpack_nonce__ = nonce;
  return nonce;
}
