/** The forecast in a worker of its own, so that the window stays smooth while thousands of runs are made. */
import { forecastWork, type WorkRequest } from './forecast-work.ts';

const channel = new MessageChannel();
const waiting: (() => void)[] = [];
channel.port1.onmessage = () => waiting.shift()?.();

const hear = forecastWork({
  report: (report) => self.postMessage(report),
  // A message to itself stands in line behind those from the window, and unlike a timer doesn't wait.
  later: (work) => {
    waiting.push(work);
    channel.port2.postMessage(null);
  },
  clock: () => performance.now(),
});

self.addEventListener('message', (event: MessageEvent<WorkRequest>) => hear(event.data));
