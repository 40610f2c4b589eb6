export type Availability = 'common' | 'uncommon' | 'made to order';

/** A kind of adapter, never a product: what its two ends are and whether it is easily had. */
export interface AdapterFamily {
  readonly id: string;
  readonly name: string;
  readonly availability: Availability;
  readonly source: string;
}

export const adapterFamilies: readonly AdapterFamily[] = [
  { id: 'A01', name: 'union or reducing union', availability: 'common', source: 'SAE J514' },
  { id: 'A02', name: 'swivel reducer or swivel elbow', availability: 'common', source: 'SAE J514' },
  { id: 'A03', name: 'flare to pipe', availability: 'common', source: 'SAE J514' },
  { id: 'A04', name: 'flare to inside pipe thread', availability: 'common', source: 'SAE J514' },
  { id: 'A05', name: 'swivel flare to pipe', availability: 'common', source: 'SAE J514' },
  { id: 'A06', name: 'flare to O-ring stud', availability: 'common', source: 'SAE J514 / J1926-2' },
  { id: 'A07', name: 'flare to metric stud with sealing washer', availability: 'common', source: 'common practice' },
  { id: 'A08', name: 'flare to metric O-ring stud', availability: 'common', source: 'ISO 8434-2 with ISO 6149-3 stud' },
  {
    id: 'A09',
    name: 'flare to parallel pipe stud',
    availability: 'common',
    source: 'common practice, no published source',
  },
  {
    id: 'A10',
    name: 'flare to 55° taper pipe',
    availability: 'common',
    source: 'common practice, no published source',
  },
  { id: 'A11', name: '37° to 45° flare', availability: 'uncommon', source: 'common practice, no published source' },
  {
    id: 'A12',
    name: 'flare to inverted flare',
    availability: 'common',
    source: 'common practice, no published source',
  },
  { id: 'A13', name: 'flare to banjo', availability: 'common', source: 'common practice, no published source' },
  { id: 'A14', name: 'flare to hose barb', availability: 'common', source: 'common practice, no published source' },
  { id: 'A15', name: 'flare to quick connect', availability: 'common', source: 'SAE J2044 end form; common practice' },
  { id: 'A16', name: 'flare to quick-connect tube end', availability: 'common', source: 'common practice' },
  { id: 'A17', name: 'O-ring stud to pipe, barb or quick connect', availability: 'common', source: 'common practice' },
  { id: 'A18', name: 'port reducer', availability: 'common', source: 'SAE J1926 / J514 practice' },
  { id: 'A19', name: 'reducing bush', availability: 'common', source: 'ASME B16.14 style bush, from memory' },
  { id: 'A20', name: 'nipple or coupling', availability: 'common', source: 'pipe fitting practice' },
  { id: 'A21', name: 'sensor adapter', availability: 'common', source: 'common practice' },
  { id: 'A22', name: '55° to 60° pipe adapter', availability: 'common', source: 'common practice' },
  { id: 'A23', name: 'metric port reducer', availability: 'uncommon', source: 'common practice' },
  { id: 'A24', name: 'metric stud to hose', availability: 'common', source: 'common practice' },
  { id: 'A25', name: 'hose joiner or reducer', availability: 'common', source: 'SAE J1231 forms' },
  { id: 'A26', name: 'double swivel', availability: 'common', source: 'common practice' },
  { id: 'A27', name: 'flange pad adapter', availability: 'common', source: 'SAE J518 practice' },
  { id: 'A28', name: 'transition cone or plate, welded', availability: 'made to order', source: 'fabrication' },
  { id: 'A29', name: 'hose reducer', availability: 'common', source: 'common practice' },
  { id: 'A31', name: 'hose end, pushed on or crimped', availability: 'common', source: 'common practice' },
  {
    id: 'A32',
    name: 'flat face to 37° flare',
    availability: 'common',
    source: 'SAE J1453 / J514 practice, from memory',
  },
  { id: 'A33', name: 'quick-connect step', availability: 'uncommon', source: 'common practice, no published source' },
  { id: 'A34', name: 'short piece of hose', availability: 'common', source: 'common practice' },
];
