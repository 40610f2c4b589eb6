import { type AnchorHTMLAttributes, type ReactNode, useMemo, useSyncExternalStore } from 'react';

export type Params = Readonly<Record<string, string>>;

/** Where the window is: `#/parts/intake-gasket?state=back-ordered` is path `/parts/intake-gasket`. */
export interface Route {
  readonly path: string;
  /** The first part of the path, which names the screen; empty at the start. */
  readonly screen: string;
  /** What follows the screen's name, decoded. */
  readonly rest: readonly string[];
  readonly params: Params;
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** Read a location hash. Anything that isn't a route of ours reads as the start. */
export function parseRoute(hash: string): Route {
  const text = hash.startsWith('#/') ? hash.slice(1) : '/';
  const [path = '/', query = ''] = text.split('?', 2);
  const [screen = '', ...rest] = path.split('/').filter(Boolean).map(decoded);
  return { path, screen, rest, params: Object.fromEntries(new URLSearchParams(query)) };
}

/** The hash of a place in the workbook; parameters without a value are left out. */
export function href(path: string, params: Readonly<Record<string, string | number | undefined>> = {}): string {
  const query = new URLSearchParams();
  for (const [name, value] of Object.entries(params)) {
    if (value !== undefined && value !== '') query.set(name, String(value));
  }
  const text = query.toString();
  return `#${path.startsWith('/') ? path : `/${path}`}${text === '' ? '' : `?${text}`}`;
}

/** Go to a place in the workbook. `replace` leaves no step to go back to, for filters that change as one types. */
export function navigate(
  path: string,
  params: Readonly<Record<string, string | number | undefined>> = {},
  { replace = false }: { readonly replace?: boolean } = {},
): void {
  const target = href(path, params);
  if (!replace) {
    window.location.hash = target;
    return;
  }
  window.history.replaceState(window.history.state, '', target);
  window.dispatchEvent(new HashChangeEvent('hashchange'));
}

function subscribe(listener: () => void): () => void {
  window.addEventListener('hashchange', listener);
  return () => window.removeEventListener('hashchange', listener);
}

/** The present place; the component is drawn again when it changes. */
export function useRoute(): Route {
  const hash = useSyncExternalStore(subscribe, () => window.location.hash);
  return useMemo(() => parseRoute(hash), [hash]);
}

export interface LinkProps extends Omit<AnchorHTMLAttributes<HTMLAnchorElement>, 'href'> {
  readonly to: string;
  readonly params?: Readonly<Record<string, string | number | undefined>>;
  readonly children: ReactNode;
}

/** A link inside the workbook: a real anchor, so that it can be opened in a second window. */
export function Link({ to, params, children, ...rest }: LinkProps) {
  return (
    <a {...rest} href={href(to, params)}>
      {children}
    </a>
  );
}
