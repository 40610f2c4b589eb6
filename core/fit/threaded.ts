import { dashRow } from './dash.ts';
import { formatPort } from './format.ts';
import { apart, type Joint, lookalike, mates, no } from './joint.ts';
import { difference, lookalikeOf, lookalikeRow, nearlyAlike, tellApart } from './near-threads.ts';
import type { PortRole, ThreadedKind, ThreadedPort } from './port.ts';
import { banjoSizes } from './tables/metric-ports.ts';
import { sameThreadPairs } from './tables/same-thread.ts';
import { plain, sameThread } from './thread.ts';

const limitsAreOurs = 'limits of near threads are a choice of this program';

const kindSources: Readonly<Record<Exclude<ThreadedKind, 'thread'>, string>> = {
  mport_oring: 'ISO 6149-1',
  flare37: 'SAE J514 / ISO 8434-2',
  flare45: 'SAE J512 / J513',
  flareinv: 'SAE J512',
  orb: 'SAE J1926-1 / ISO 11926-1',
  orfs: 'SAE J1453 / ISO 8434-3',
  npt: 'ASME B1.20.1',
  nptf: 'ASME B1.20.1',
  r: 'ISO 7-1',
  rp: 'ISO 7-1',
  g: 'ISO 228-1',
  banjo: 'DIN 7643 practice',
};

function sourceOf(port: ThreadedPort, role: PortRole): string {
  if (port.kind !== 'thread') return kindSources[port.kind];
  if (port.thread.system === 'unified') return 'ASME B1.1';
  return role === 'fastener' ? 'ISO 261' : 'ISO 261 / ISO 9974-1';
}

/** The standards behind two threaded ends. */
export const sourcesOf = (one: ThreadedPort, other: ThreadedPort, role: PortRole): string =>
  [...new Set([sourceOf(one, role), sourceOf(other, role)].toSorted())].join('; ');

/** How each kind seals, in the words of a reason. */
const seals: Readonly<Record<ThreadedKind, string>> = {
  thread: 'a plain thread with a flat face',
  mport_oring: 'an O-ring in a chamfered mouth',
  flare37: 'a 37° cone',
  flare45: 'a 45° cone',
  flareinv: 'a flare seated inside the port',
  orb: 'an O-ring boss',
  orfs: 'a flat face with an O-ring',
  npt: 'a taper thread',
  nptf: 'a dryseal taper thread',
  r: 'a taper thread',
  rp: 'a parallel thread for a taper one',
  g: 'a parallel thread with a washer face',
  banjo: 'a banjo with washers',
};

const washerFor = (thread: string): string => {
  const found = banjoSizes.find((row) => row.thread === thread)?.washer;
  return found === undefined ? '' : ` ${found} mm`;
};

/** What the joint needs besides its two ends. Source: the standards of the kinds; washer sizes DIN 7603, from memory. */
function needsOf(male: ThreadedPort, female: ThreadedPort): readonly string[] {
  switch (male.kind) {
    case 'thread':
      return [`sealing washer${washerFor(male.thread.name)} or O-ring under the shoulder`];
    case 'mport_oring':
      return [`O-ring for the ISO 6149 port ${male.thread.name}`];
    case 'orb': {
      const row = dashRow('orb', male.dash ?? 0);
      return [
        row?.oRing === undefined
          ? 'O-ring'
          : `O-ring ${row.oRing} (${plain(row.oRingIdMm ?? 0)} x ${plain(row.oRingSectionMm ?? 0)} mm)`,
      ];
    }
    case 'orfs':
      return [`O-ring for the face of -${male.dash}`];
    case 'npt':
    case 'r':
      return ['thread sealant'];
    case 'nptf':
      return female.kind === 'nptf' ? [] : ['thread sealant'];
    case 'g':
      return [female.kind === 'rp' ? 'face washer under the shoulder' : 'sealing washer or O-ring under the shoulder'];
    case 'banjo':
      return [`two sealing washers${washerFor(male.thread.name)}`];
    default:
      return [];
  }
}

function notesOf(male: ThreadedPort, female: ThreadedPort): readonly string[] {
  const notes: string[] = [];
  const unlike = male.kind === 'flare37' && male.grade !== female.grade;
  const row = unlike ? lookalikeRow('LA30') : undefined;
  if (row !== undefined) notes.push(row.consequence);
  if (male.kind.startsWith('flare')) notes.push('The cone seals metal on metal: clean and dry, no sealant.');
  if (male.kind === 'nptf' && female.kind === 'nptf') notes.push('Dryseal on both sides: a light sealant at most.');
  if (male.kind !== female.kind && [male.kind, female.kind].every((kind) => kind === 'npt' || kind === 'nptf')) {
    notes.push('Dryseal needs NPTF on both sides; here the sealant seals.');
  }
  return notes;
}

/** Male and female with the same thread: the kinds decide. */
function sameThreads(male: ThreadedPort, female: ThreadedPort, role: PortRole): Joint {
  const source = sourcesOf(male, female, role);
  const thread = male.thread.name;
  if (role === 'fastener' || role === 'electrical') {
    return mates(`Same thread, ${thread}`, source, [], ['Check the reach and the property class.']);
  }
  const row = sameThreadPairs.find((one) => one.male === male.kind && one.female === female.kind);
  if (row === undefined) return no(`${formatPort(male)} has no counterpart in ${formatPort(female)}`, source);
  if (row.verdict === 'mates') {
    const dash = male.dash === undefined ? thread : `-${male.dash}`;
    const reason =
      male.kind === 'flare37' && male.grade !== female.grade
        ? `Same seat and thread size, ${dash}; the thread class differs: not for aircraft`
        : male.kind === female.kind && male.kind !== 'thread'
          ? `Same kind and size, ${dash}`
          : `Same thread, ${thread}${male.kind === 'thread' || male.kind === 'g' ? '; the thread does not seal' : ''}`;
    return mates(reason, source, needsOf(male, female), notesOf(male, female));
  }
  const alike = row.lookalike === undefined ? undefined : lookalikeRow(row.lookalike);
  return lookalike(`Same thread, ${thread}, but ${seals[male.kind]} against ${seals[female.kind]}`, {
    consequence: alike?.consequence ?? 'The thread engages and nothing seals.',
    howToTell: alike?.howToTell ?? 'look where it seals',
    severity: row.severity,
    source: alike?.source ?? source,
    ...(alike === undefined ? {} : { id: alike.id }),
  });
}

/** What a near thread does that has no row in the catalogue. */
function nearConsequence(male: ThreadedPort, female: ThreadedPort): string {
  const more = male.thread.diameter - female.thread.diameter;
  if (Math.abs(more) < 0.02) return 'It starts, then binds.';
  return more > 0 ? 'It will be forced in and destroy the thread.' : 'It goes in loose and strips under load.';
}

/** The catalogue's words; where those only name the tool, what it shows as well. */
const howToTell = ({ thread }: ThreadedPort, other: ThreadedPort, said: string | undefined): string => {
  if (said === undefined) return tellApart(thread, other.thread);
  return said.length > 20 ? said : `${said}; ${tellApart(thread, other.thread)}`;
};

/** A male and a female threaded end. */
export function joinThreads(male: ThreadedPort, female: ThreadedPort, role: PortRole): Joint {
  if (sameThread(male.thread, female.thread)) return sameThreads(male, female, role);
  const source = sourcesOf(male, female, role);
  const differs = difference(male.thread, female.thread);
  if (nearlyAlike(male.thread, female.thread) !== undefined) {
    const row = lookalikeOf(male.thread, female.thread);
    return lookalike(`${male.thread.name} into ${female.thread.name}: ${differs}`, {
      consequence: row?.consequence ?? nearConsequence(male, female),
      howToTell: howToTell(male, female, row?.howToTell),
      severity: row?.severity ?? 'danger',
      source: row?.source ?? `${source}; ${limitsAreOurs}`,
      ...(row === undefined ? {} : { id: row.id }),
    });
  }
  const reason = `${male.thread.name} and ${female.thread.name} do not engage: ${differs}`;
  return role === 'fastener' || role === 'electrical'
    ? no(reason, source)
    : apart(reason, source, apartNotes(male, female));
}

const apartNotes = (male: ThreadedPort, female: ThreadedPort): readonly string[] => {
  const kinds = [male.kind, female.kind];
  const mixed = kinds.includes('flare37') && kinds.includes('flare45') && male.dash === female.dash;
  return mixed
    ? ['37° and 45° flares of the same dash are taken for one another: check which the tube or hose has.']
    : [];
};
