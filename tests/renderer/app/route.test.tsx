import { act, render, screen } from '@testing-library/react';
import { expect, it } from 'vitest';
import { href, Link, navigate, parseRoute, useRoute } from '../../../renderer/app/route.tsx';

it.each([
  ['', '', [], {}],
  ['#/', '', [], {}],
  ['#t=secret', '', [], {}],
  ['#/parts', 'parts', [], {}],
  ['#/parts/17?state=back-ordered&text=a%26b', 'parts', ['17'], { state: 'back-ordered', text: 'a&b' }],
  ['#/lists/bins/Shelf%202', 'lists', ['bins', 'Shelf 2'], {}],
  ['#/lists/%E0%A4%A', 'lists', ['%E0%A4%A'], {}],
])('reads %s', (hash, name, rest, params) => {
  expect(parseRoute(hash)).toMatchObject({ screen: name, rest, params });
});

it('writes a place that reads back the same, without empty parameters', () => {
  const written = href('/parts', { text: 'hose & "clamp" 50%', state: undefined, page: 2, vendor: '' });
  expect(written).toBe('#/parts?text=hose+%26+%22clamp%22+50%25&page=2');
  expect(parseRoute(written).params).toEqual({ text: 'hose & "clamp" 50%', page: '2' });
});

function Here() {
  const { path, params } = useRoute();
  return (
    <p>
      {path} {params['q'] ?? ''} <Link to="/orders">Orders</Link>
    </p>
  );
}

it('draws again when the place changes, replaced or not', () => {
  render(<Here />);
  const steps = window.history.length;
  act(() => navigate('/parts', { q: 'hose' }, { replace: true }));
  expect(screen.getByText(/\/parts hose/)).toBeTruthy();
  expect(window.history.length).toBe(steps);
  expect(screen.getByRole('link', { name: 'Orders' }).getAttribute('href')).toBe('#/orders');
});
