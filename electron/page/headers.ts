/**
 * What the page may do, sent as a header by both shells: its own files and its own /api, nothing else. Styles made at
 * run time by the component library carry the nonce of the page; scripts have no such door.
 */
function contentSecurityPolicy(styleNonce?: string): string {
  return [
    "default-src 'none'",
    "script-src 'self'",
    styleNonce === undefined ? "style-src 'self'" : `style-src 'self' 'nonce-${styleNonce}'`,
    "img-src 'self' blob: data:",
    "font-src 'self'",
    "connect-src 'self'",
    "worker-src 'self' blob:",
    "manifest-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
    "object-src 'none'",
  ].join('; ');
}

/** Headers of every answer, whatever it is: a page, data, a refusal. */
export function securityHeaders(styleNonce?: string): Readonly<Record<string, string>> {
  return {
    'Content-Security-Policy': contentSecurityPolicy(styleNonce),
    'X-Content-Type-Options': 'nosniff',
    'X-Frame-Options': 'DENY',
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Resource-Policy': 'same-origin',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Permissions-Policy': 'camera=(), microphone=(), geolocation=(), usb=(), serial=(), hid=()',
    Vary: 'Origin, Sec-Fetch-Site',
  };
}
