import { useReading, useWorkspace } from '../../app/workspace.tsx';
import { BuildStart } from './build-start.tsx';
import { ClosedStart } from './closed-start.tsx';
import { MakeBuild } from './make-build.tsx';
import './start.css';

/** The first page: a way in while no workbook is open, and what matters today once one is. */
export default function StartScreen() {
  const { isOpen } = useWorkspace();
  const reading = useReading();
  if (!isOpen) return <ClosedStart />;
  return reading === null ? <MakeBuild /> : <BuildStart reading={reading} />;
}
