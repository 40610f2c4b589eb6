import { TextInput } from '@mantine/core';
import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { type Calculator, type GroupId, groupTitles } from '../../../core/calculators/calculator.ts';
import { calculators } from '../../../core/calculators/index.ts';
import { Link, navigate } from '../../app/route.tsx';
import { findCalculators } from './find-calculators.ts';

const groups = Object.keys(groupTitles) as readonly GroupId[];

export interface CalculatorListProps {
  readonly chosen: Calculator | undefined;
  /** One was chosen here, so that the keyboard goes on at its fields. */
  readonly onChoose: () => void;
}

/** All calculators by group. One stop of the Tab key: arrows go through the list, Enter in the search opens the first. */
export function CalculatorList({ chosen, onChoose }: CalculatorListProps) {
  const [text, setText] = useState('');
  const list = useRef<HTMLElement>(null);
  const found = findCalculators(text, calculators);
  const stop = found.find((one) => one === chosen) ?? found[0];

  // Only the list is scrolled: the page stays where the reader is.
  // biome-ignore lint/correctness/useExhaustiveDependencies: another calculator is what has to come into sight
  useEffect(() => {
    const frame = list.current;
    const link = frame?.querySelector<HTMLElement>('a[aria-current]');
    if (frame === null || link === null || link === undefined) return;
    const hidden = link.offsetTop < frame.scrollTop || link.offsetTop > frame.scrollTop + frame.clientHeight - 40;
    if (hidden) frame.scrollTop = link.offsetTop - frame.clientHeight / 2;
  }, [chosen]);

  const focusAt = (place: number) => {
    const links = [...(list.current?.querySelectorAll('a') ?? [])];
    links[Math.max(0, Math.min(place, links.length - 1))]?.focus();
  };
  const pressedInSearch = (event: KeyboardEvent) => {
    const [first] = found;
    if (event.key === 'ArrowDown') {
      event.preventDefault();
      focusAt(0);
    } else if (event.key === 'Enter' && first !== undefined) {
      onChoose();
      navigate('/calculators', { id: first.id });
    }
  };
  const pressedInList = (event: KeyboardEvent<HTMLAnchorElement>) => {
    const links = [...(list.current?.querySelectorAll('a') ?? [])];
    const here = links.indexOf(event.currentTarget);
    const target = { ArrowDown: here + 1, ArrowUp: here - 1, Home: 0, End: links.length }[event.key];
    if (target === undefined) return;
    event.preventDefault();
    focusAt(target);
  };

  return (
    <div className="calculators-side not-printed" data-chosen={chosen !== undefined}>
      <TextInput
        type="search"
        label="Find a calculator"
        value={text}
        onChange={(event) => setText(event.currentTarget.value)}
        onKeyDown={pressedInSearch}
        autoComplete="off"
      />
      <p className="calculators-soft" role="status">
        {found.length === 0
          ? 'No calculator has these words; one of them alone may find it.'
          : text.trim() === ''
            ? ''
            : `${found.length} of ${calculators.length}`}
      </p>
      <nav className="calculators-list" aria-label="Calculators" ref={list}>
        {groups.map((group) => {
          const members = found.filter((one) => one.group === group);
          if (members.length === 0) return null;
          return (
            <section key={group} aria-labelledby={`calculators-${group}`}>
              <h2 id={`calculators-${group}`}>{groupTitles[group]}</h2>
              <ul>
                {members.map((one) => (
                  <li key={one.id}>
                    <Link
                      to="/calculators"
                      params={{ id: one.id }}
                      aria-current={one === chosen ? 'true' : undefined}
                      tabIndex={one === stop ? 0 : -1}
                      onKeyDown={pressedInList}
                      onClick={onChoose}
                    >
                      <span className="calculators-id">{one.id}</span> {one.title}
                    </Link>
                  </li>
                ))}
              </ul>
            </section>
          );
        })}
      </nav>
    </div>
  );
}
