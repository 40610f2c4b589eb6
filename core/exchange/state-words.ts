/**
 * A builder's own words for where a part stands, and our guess at what they mean. Every guess is shown and can be
 * overruled word by word. Trade words from common practice, no published source.
 */
import { oneLine, plainWords } from './clean-text.ts';
import type { ImportField, ImportState } from './import-types.ts';

/** First match wins, so refusals and special cases stand before the plain words. */
const patterns: readonly (readonly [pattern: RegExp, state: ImportState])[] = [
  [/\b(?:sent|send|going|gone) back\b|\breturn(?:ed|ing)?\b|zuruckgeschickt|\bretour\b/, 'sent-back'],
  [/\bwrong\b|\bfalsch/, 'wrong-part'],
  [/\bmock|\btrial\b|\btest[- ]?fit|\bdry[- ]?fit|\bprobe/, 'trial-fitted'],
  [/\bsnug\b|\b(?:hand|finger)[- ]tight|\bnot (?:yet )?torqued|\bnicht angezogen|\bhandfest/, 'snug'],
  [/\bverified\b|\btorqued\b|\bchecked\b|\bgepruft\b|\bangezogen\b/, 'verified'],
  [/\bborrow|\bon loan\b|\bloan|\blent\b|\bgeliehen|\bausgeliehen|\bprete\b/, 'borrowed'],
  [/\bdonor\b|\bspender|\boff the (?:old|spare)|\bfrom the (?:old|spare)/, 'donor'],
  [/\bback[- ]?order|\bruckstand|\bout of stock\b|\bnicht lieferbar/, 'back-ordered'],
  [/\bpart(?:ly|ial|ially)\b|\bsome\b|\bteilweise|\bteillieferung/, 'partly-received'],
  [
    /\bnot (?:needed|required|used)\b|\bno longer (?:needed|required)\b|\bcancel|\bstorniert|\bentfallt|\bnicht notig|\bdon'?t need\b|^n\/?a$/,
    'not-needed',
  ],
  [
    /\btransit\b|\bshipped\b|\bdispatched\b|\bon (?:the|its) way\b|\bunterwegs|\bversandt|\bversendet|\bin the post\b/,
    'in-transit',
  ],
  [/\backnowledged\b|\bconfirmed\b|\bbestatigt/, 'acknowledged'],
  [/\bquot(?:e|ed)\b|\bangebot|\bangefragt/, 'quoted'],
  [/\bmaybe\b|\bdecide|\bundecided\b|\btbd\b|\bthinking\b|\bvielleicht|\?$/, 'decision-open'],
  [/\ballocated\b|\breserved\b|\bset aside\b|\breserviert/, 'allocated'],
  [
    /\bto (?:order|buy|get|make|fab)\b|\bneed|\bwant|\bmissing\b|\bfehlt|\bbrauch|^buy$|^make$|^fab$|\bbestellen\b|\bkaufen\b/,
    'needed',
  ],
  [/^no\b|^nope\b|^nein\b|^non$|^none\b|^false$|^n$|\bnot\b|\bnicht\b|\bnoch nicht/, 'needed'],
  [
    /\bfitted\b|\binstalled\b|\bmounted\b|\bassembled\b|\beingebaut|\bmontiert|\bverbaut|\bon (?:the )?engine\b|^on$|\bmonte\b|\bmontato\b|\bmontado\b/,
    'fitted',
  ],
  [/\balready\b|\bowned?\b|\bhad it\b|\bschon da\b/, 'already-owned'],
  [
    /\bordered\b|\bon order\b|\bbestellt|\border(?:ed)? placed\b|\bcommande|\bpedido\b|\bordinato\b|\bbesteld\b|^open$/,
    'ordered',
  ],
  [
    /\byes\b|^y$|^yep\b|\bgot\b|\bhave\b|\bhere\b|\barrived\b|\breceived\b|\bdelivered\b|\bshelf\b|\bin hand\b|\bin stock\b|\bstock\b/,
    'on-shelf',
  ],
  [
    /^da\b|^ja\b|\berhalten|\bgeliefert|\bvorhanden|\blager\b|^complete[d]?$|^closed$|^done$|^ok$|^oui$|^si$|^true$|^x$|^✓|^✔/,
    'on-shelf',
  ],
];

const binPattern =
  /[\s,;:–-]*\(?\b((?:box|bin|shelf|rack|bay|crate|drawer|tray|kiste|fach|regal|kasten)\s*(?:no\.?|nr\.?|#)?\s*[a-z]?\d+[a-z]?)\b\)?/i;

export interface StateWord {
  /** The same for every spelling of the word: what answers are given for. */
  readonly key: string;
  readonly bin?: string;
}

/** Splits "Yes - box 3" into the word "yes" and the place "box 3". */
export function stateWord(text: string): StateWord {
  // A word is short; the length is bounded so that no text can keep the patterns busy.
  const line = oneLine(text).slice(0, 200);
  const bin = binPattern.exec(line);
  const rest = bin === null ? line : line.replace(binPattern, ' ');
  const key = plainWords(rest)
    .replace(/^[\s,;:.–-]+|[\s,;:.!–-]+$/g, '')
    .slice(0, 80);
  return bin?.[1] === undefined ? { key } : { key, bin: bin[1] };
}

/**
 * What a word most likely means. The column matters: "yes" under Ordered is ordered, under Fitted it is fitted.
 * A place without a word ("box 3") says that the part is here.
 */
export function guessState(key: string, field: ImportField, hasBin = false): ImportState {
  if (key === '') return hasBin ? 'on-shelf' : 'unknown';
  const state = patterns.find(([pattern]) => pattern.test(key))?.[1] ?? 'unknown';
  if (state === 'unknown') return hasBin ? 'on-shelf' : 'unknown';
  if (state === 'on-shelf' && field === 'orderedOn') return 'ordered';
  if (state === 'on-shelf' && field === 'fittedState') return 'fitted';
  return state;
}

const smallWords = new Set(
  (
    'yes got here have shelf only with from this that wrong sent back mock trial torqued snug ordered order need part parts ' +
    'partly fitted engine maybe borrowed arrived received'
  ).split(' '),
);

/** Whether a text says more than its state: "yes, pile by the door" does, and is kept in the note. */
export function saysMore(key: string): boolean {
  if (key.length > 24) return true;
  const words = key.split(/[^\p{L}]+/u).filter((word) => word.length > 3);
  return words.length > 1 && words.some((word) => !smallWords.has(word));
}
