import { calculator } from '../calculator.ts';
import { makersValueGoverns } from '../cautions.ts';
import { sprocketInputs } from './teeth.ts';

const wholeTurn = 2 * Math.PI;

export const toothError = calculator({
  id: 'H2',
  slug: 'tooth-error',
  title: 'Tooth error in degrees',
  about: 'How far the cam is out when the belt sits some teeth off.',
  inputs: {
    ...sprocketInputs,
    teeth_error: { label: 'Teeth off', dimension: 'number', unit: '-' },
  },
  outputs: {
    crank_deg_per_tooth: { label: 'Crank angle of one tooth', dimension: 'angle', unit: 'deg' },
    cam_deg_per_tooth: { label: 'Cam angle of one tooth', dimension: 'angle', unit: 'deg' },
    crank_error: { label: 'Error in crank degrees', dimension: 'angle', unit: 'deg' },
    cam_error: { label: 'Error in cam degrees', dimension: 'angle', unit: 'deg' },
  },
  formula:
    'crank_deg_per_tooth = 360°/crank_teeth; cam_deg_per_tooth = 360°/cam_teeth; cam_error = teeth_error · 360°/cam_teeth; ' +
    'crank_error = teeth_error · 720°/cam_teeth',
  source: 'Derived by hand.',
  notes: ['One belt tooth moves the cam by 360°/cam_teeth of cam, which is twice that of crank.'],
  caution: makersValueGoverns,
  example: { crank_teeth: { value: 24 }, cam_teeth: { value: 48 }, teeth_error: { value: 1 } },
  compute: ({ crank_teeth: crank, cam_teeth: cam, teeth_error: teeth }) => ({
    outputs: {
      crank_deg_per_tooth: wholeTurn / crank,
      cam_deg_per_tooth: wholeTurn / cam,
      crank_error: (2 * teeth * wholeTurn) / cam,
      cam_error: (teeth * wholeTurn) / cam,
    },
  }),
});
