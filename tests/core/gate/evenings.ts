import { readWorkingTime } from '../../../core/schedule/working-time.ts';

/** The builder's hours of the worked cases: two evenings and Saturday, eleven hours a week. */
export const evenings = readWorkingTime({
  weekly: [
    { weekday: 2, from: '18:30', to: '21:00' },
    { weekday: 4, from: '18:30', to: '21:00' },
    { weekday: 6, from: '09:00', to: '15:00' },
  ],
  exceptions: [],
});
