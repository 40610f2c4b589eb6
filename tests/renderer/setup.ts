import { cleanup, configure } from '@testing-library/react';
import { afterEach } from 'vitest';

// Two files at once on a busy machine: what is waited for may take longer than the library's second.
configure({ asyncUtilTimeout: 10_000 });

// The test document has no layout, so what asks about sizes and media gets a fixed answer.
Object.defineProperty(window, 'matchMedia', {
  writable: true,
  value: (query: string): MediaQueryList => ({
    matches: false,
    media: query,
    onchange: null,
    addListener: () => undefined,
    removeListener: () => undefined,
    addEventListener: () => undefined,
    removeEventListener: () => undefined,
    dispatchEvent: () => false,
  }),
});

class StillObserver implements ResizeObserver {
  observe(): void {}
  unobserve(): void {}
  disconnect(): void {}
}
window.ResizeObserver = StillObserver;
Element.prototype.scrollIntoView = () => undefined;
window.scrollTo = () => undefined;

if (document.fonts === undefined) {
  Object.defineProperty(document, 'fonts', { value: new EventTarget() });
}

afterEach(() => {
  cleanup();
  window.location.hash = '';
});
