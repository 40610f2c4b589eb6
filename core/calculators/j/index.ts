import type { Calculator } from '../calculator.ts';
import { coolant } from './coolant.ts';
import { exhaustFlow } from './exhaust-flow.ts';
import { pipeVelocity } from './pipe-velocity.ts';

export const groupJ: readonly Calculator[] = [pipeVelocity, exhaustFlow, coolant];
