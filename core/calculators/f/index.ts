import type { Calculator } from '../calculator.ts';
import { adapterTorque } from './adapter-torque.ts';
import { frictionTorque } from './friction-torque.ts';
import { nutFactorTorque } from './nut-factor-torque.ts';
import { stressAreaAndProofLoad } from './stress-area.ts';
import { tapDrill } from './tap-drill.ts';
import { threadEngagement } from './thread-engagement.ts';
import { torqueAngle } from './torque-angle.ts';
import { yieldPreload } from './yield-preload.ts';

export const groupF: readonly Calculator[] = [
  stressAreaAndProofLoad,
  nutFactorTorque,
  frictionTorque,
  yieldPreload,
  adapterTorque,
  torqueAngle,
  threadEngagement,
  tapDrill,
];
