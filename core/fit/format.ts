import { dashNames, dashRow } from './dash.ts';
import type { DashKind, Port, ThreadedPort } from './port.ts';
import { coarsePitch, plain } from './thread.ts';

const dashed = (port: ThreadedPort, kind: DashKind): string => {
  const { dash = 0, grade } = port;
  return `${kind === 'flare37' ? (grade ?? 'JIC') : dashNames[kind]} -${dash} (${dashRow(kind, dash)?.thread ?? ''})`;
};

/** The designation itself, without gender and the words beside it. */
function core(port: Port): string {
  switch (port.kind) {
    case 'thread':
      return port.thread.name;
    case 'mport_oring':
      return `ISO6149 ${port.thread.name}`;
    case 'flare37':
    case 'flare45':
    case 'flareinv':
    case 'orb':
    case 'orfs':
      return dashed(port, port.kind);
    case 'npt':
      return port.thread.name;
    case 'nptf':
      return `${port.thread.name}F`;
    case 'g':
      return `G ${port.thread.size}`;
    case 'r':
      return `${port.gender === 'female' ? 'Rc' : 'R'} ${port.thread.size}`;
    case 'rp':
      return `Rp ${port.thread.size}`;
    case 'banjo':
      return `banjo ${port.thread.name.replace(/ UN\w*$/, '')}`;
    case 'barb':
    case 'hose':
    case 'tube':
      return `${port.kind} ${plain(port.mm)} mm`;
    case 'quick':
      return `QC ${plain(port.mm)}`;
    case 'vband':
      return `VB ${plain(port.mm)}${port.mm < 12 ? ' mm' : ''}`;
    case 'slip':
      return `slip ${plain(port.mm)}${port.mm < 12 ? ' mm' : ''} ${port.of}`;
    case 'splitflange':
      return `flange code${port.code} -${port.dash}`;
    case 'tradeflange':
      return `flange ${port.name}`;
    case 'pattern': {
      const { diameter, pitch, name } = port.screw;
      const [first, second] = port.spacing;
      const screw = coarsePitch(diameter) === pitch ? `M${plain(diameter)}` : name;
      return `pattern ${port.count}x${screw} ${second === undefined ? `pcd ${plain(first)}` : `${plain(first)}x${plain(second)}`}`;
    }
    case 'elec':
      return `elec ${port.cavities}`;
  }
}

/** The canonical text of a port; parsing it gives the same port again. */
export function formatPort(port: Port): string {
  return [
    core(port),
    port.gender,
    port.kind === 'elec' && port.key !== undefined ? `key ${port.key}` : undefined,
    port.kind === 'elec' && port.family !== undefined ? `family ${port.family}` : undefined,
    port.kind === 'vband' && port.profile !== undefined ? `profile ${port.profile}` : undefined,
    port.seal,
    port.swivel === true ? 'swivel' : undefined,
  ]
    .filter((part) => part !== undefined)
    .join(' ');
}
