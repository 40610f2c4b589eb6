export * from './files.ts';
export * from './ledger.ts';
export * from './orders.ts';
export * from './parts.ts';
export * from './records.ts';
