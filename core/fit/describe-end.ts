import { genderOf } from './direct.ts';
import { formatPort } from './format.ts';
import type { Port } from './port.ts';
import { plain } from './thread.ts';

/** An end of an adapter in plain words, generic: `male 37° flare -6`, `male M14x1.5 with sealing washer`. */
export function describeEnd(port: Port): string {
  const gender = genderOf(port) ?? '';
  const turns = port.swivel === true ? `${gender} swivel` : gender;
  switch (port.kind) {
    case 'flare37':
      return `${turns} 37° flare -${port.dash}`;
    case 'flare45':
      return `${turns} 45° flare -${port.dash}`;
    case 'flareinv':
      return `${turns} inverted flare -${port.dash}`;
    case 'orb':
      return `${turns} ORB -${port.dash}`;
    case 'orfs':
      return `${turns} ORFS -${port.dash}`;
    case 'npt':
    case 'nptf':
      return `${gender} ${port.thread.size} ${port.kind.toUpperCase()}`;
    case 'r':
      return gender === 'female' ? `female Rc ${port.thread.size}` : `male R ${port.thread.size}`;
    case 'rp':
      return `female Rp ${port.thread.size}`;
    case 'g':
      return `${gender} G ${port.thread.size}${gender === 'male' ? ' with sealing washer' : ''}`;
    case 'thread':
      return `${gender} ${port.thread.name}${gender === 'male' ? ' with sealing washer' : ''}`;
    case 'mport_oring':
      return `${gender} O-ring stud ${port.thread.name} (ISO 6149)`;
    case 'banjo':
      return `banjo eye with bolt ${port.thread.name.replace(/ UN\w*$/, '')}`;
    case 'barb':
      return `${plain(port.mm)} mm barb`;
    case 'hose':
      return `${plain(port.mm)} mm bore hose`;
    case 'quick':
      return gender === 'male' ? `quick-connect tube end ${plain(port.mm)}` : `quick connect for ${plain(port.mm)}`;
    case 'splitflange':
      return `split flange head code ${port.code} -${port.dash}`;
    default:
      return formatPort(port);
  }
}
