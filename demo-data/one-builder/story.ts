import type { StoryStep } from '../story-types.ts';
import { february } from './story/2026-02.ts';
import { march } from './story/2026-03.ts';
import { april } from './story/2026-04.ts';
import { may } from './story/2026-05.ts';
import { june } from './story/2026-06.ts';
import { july } from './story/2026-07.ts';
import { august } from './story/2026-08.ts';
import { september } from './story/2026-09.ts';
import { october } from './story/2026-10.ts';
import { november } from './story/2026-11.ts';

/** Nine months of entries in the order in which they were made. */
export const story: readonly StoryStep[] = [
  ...february,
  ...march,
  ...april,
  ...may,
  ...june,
  ...july,
  ...august,
  ...september,
  ...october,
  ...november,
];
