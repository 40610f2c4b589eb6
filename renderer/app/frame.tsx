import { ActionIcon, Button, NativeSelect, Tooltip } from '@mantine/core';
import { IconArrowBackUp, IconArrowForwardUp, IconDots, IconSearch } from '@tabler/icons-react';
import { type ReactNode, useEffect, useMemo, useState } from 'react';
import { type Command, Palette } from '../parts/palette.tsx';
import { AsOfBanner, AsOfControl } from './as-of.tsx';
import { LookSwitches, lookCommands } from './look.tsx';
import { Link, navigate, useRoute } from './route.tsx';
import { type Screen, screenAt } from './screens.ts';
import { searchWithScreens } from './search-screens.ts';
import { type NamedAct, useWorkspace } from './workspace.tsx';
import './frame.css';

/** Whether a key press belongs to something that is being typed in. */
function typing(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement && (target.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName))
  );
}

function useFrameKeys(openSearch: () => void, undo: NamedAct | null, redo: NamedAct | null): void {
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      if (key === 'k') {
        event.preventDefault();
        openSearch();
        return;
      }
      // Inside a field, Ctrl+Z takes back typing and is left to the field.
      if (typing(event.target)) return;
      const act = key === 'z' ? (event.shiftKey ? redo : undo) : key === 'y' ? redo : null;
      if (act === null) return;
      event.preventDefault();
      void act.run();
    };
    window.addEventListener('keydown', pressed);
    return () => window.removeEventListener('keydown', pressed);
  }, [openSearch, undo, redo]);
}

function NavigationList({ list, here }: { readonly list: readonly Screen[]; readonly here: Screen | undefined }) {
  return (
    <ul>
      {list.map((screen) => (
        <li key={screen.id}>
          <Link to={screen.path} aria-current={screen === here ? 'page' : undefined}>
            <screen.icon aria-hidden />
            <span>{screen.title}</span>
          </Link>
        </li>
      ))}
    </ul>
  );
}

function Navigation({ screens, here }: { readonly screens: readonly Screen[]; readonly here: Screen | undefined }) {
  const [more, setMore] = useState(false);
  const rest = screens.filter((screen) => screen.main !== true);
  // biome-ignore lint/correctness/useExhaustiveDependencies: arriving anywhere closes the list
  useEffect(() => setMore(false), [here]);
  return (
    <nav className="navigation not-printed" aria-label="Screens">
      <div className="navigation-wide">
        <NavigationList list={screens.filter((screen) => screen.group === 'work')} here={here} />
        <NavigationList list={screens.filter((screen) => screen.group === 'workbook')} here={here} />
      </div>
      <div className="navigation-narrow">
        {more && (
          <div className="navigation-more" id="more-screens">
            <NavigationList list={rest} here={here} />
            <LookSwitches />
          </div>
        )}
        <NavigationList list={screens.filter((screen) => screen.main === true)} here={here} />
        <button type="button" aria-expanded={more} aria-controls="more-screens" onClick={() => setMore(!more)}>
          <IconDots aria-hidden />
          <span>More</span>
        </button>
      </div>
    </nav>
  );
}

function ActButton({ act, verb, keys, icon }: { act: NamedAct | null; verb: string; keys: string; icon: ReactNode }) {
  const label = act === null ? `Nothing to ${verb.toLowerCase()}` : `${verb} ${act.label}`;
  return (
    <Tooltip label={`${label} (${keys})`}>
      <ActionIcon
        aria-label={label}
        aria-disabled={act === null}
        {...(act === null ? { 'data-disabled': true } : {})}
        onClick={() => void act?.run()}
      >
        {icon}
      </ActionIcon>
    </Tooltip>
  );
}

function BuildPicker() {
  const { builds, buildId, chooseBuild } = useWorkspace();
  if (builds.length === 0) return null;
  return (
    <NativeSelect
      aria-label="Build"
      className="build-picker"
      value={String(buildId ?? '')}
      data={builds.map(({ id, name }) => ({ value: String(id), label: name }))}
      onChange={(event) => chooseBuild(Number(event.currentTarget.value))}
    />
  );
}

/** Everything around a screen: where else to go, which workbook and build this is, and what can be taken back. */
export function Frame({ screens, children }: { readonly screens: readonly Screen[]; readonly children: ReactNode }) {
  const { workbookName, undo, redo, search, commands } = useWorkspace();
  const { screen } = useRoute();
  const here = screenAt(screen, screens);
  const [searching, setSearching] = useState(false);
  useFrameKeys(() => setSearching(true), undo, redo);

  const allCommands = useMemo<readonly Command[]>(
    () => [
      ...commands,
      ...screens.map(({ id, title, path }) => ({
        id: `go-${id}`,
        label: `Go to ${title}`,
        run: () => navigate(path),
      })),
      ...lookCommands,
    ],
    [commands, screens],
  );

  const searchAll = useMemo(() => searchWithScreens(screens, search), [screens, search]);

  return (
    <div className="frame">
      <button type="button" className="skip-link" onClick={skipToContent}>
        Skip to the page
      </button>
      <Navigation screens={screens} here={here} />
      <header className="header not-printed">
        <span className="workbook-name">{workbookName}</span>
        <BuildPicker />
        <AsOfControl />
        <span className="header-gap" />
        <Button
          className="search-button"
          leftSection={<IconSearch aria-hidden size="1.1em" />}
          onClick={() => setSearching(true)}
        >
          <span className="search-word">Search</span> <kbd aria-hidden>Ctrl K</kbd>
        </Button>
        <span className="header-turns">
          <ActButton act={undo} verb="Undo" keys="Ctrl+Z" icon={<IconArrowBackUp aria-hidden size="1.25em" />} />
          <ActButton
            act={redo}
            verb="Redo"
            keys="Ctrl+Shift+Z"
            icon={<IconArrowForwardUp aria-hidden size="1.25em" />}
          />
        </span>
        <span className="header-look">
          <LookSwitches />
        </span>
      </header>
      <main id="content" className="content" tabIndex={-1}>
        <AsOfBanner />
        {children}
      </main>
      <Palette opened={searching} onClose={() => setSearching(false)} commands={allCommands} search={searchAll} />
    </div>
  );
}

/** The address after # is the route, so the skip link is a button that moves the focus itself. */
function skipToContent(): void {
  document.getElementById('content')?.focus();
}
