import { describe, expect, it } from 'vitest';
import { looksSynced, mountTypeOf, placeNotices, placeOf } from '../../../../core/workbook/file/location.ts';
import { folder } from './sample.ts';

// The two forms of a mount table: proc(5) for Linux, mount(8) for macOS. Names invented.
const linux = [
  '/dev/sda1 / ext4 rw,relatime 0 0',
  'server:/share /mnt/share nfs4 rw 0 0',
  '//server/a /mnt/my\\040drawings cifs rw 0 0',
  '/dev/sdb1 /mnt/share/disk ext4 rw 0 0',
].join('\n');
const macos = [
  '/dev/disk1s1 on / (apfs, local, journaled)',
  '//me@server/share on /Volumes/the share (smbfs, nodev, nosuid)',
].join('\n');

describe('where a workbook lives', () => {
  it.each([
    ['/home/me/a.hoistday', linux, 'ext4'],
    ['/mnt/share/a.hoistday', linux, 'nfs4'],
    ['/mnt/share/disk/a.hoistday', linux, 'ext4'],
    ['/mnt/shared/a.hoistday', linux, 'ext4'],
    ['/mnt/my drawings/a.hoistday', linux, 'cifs'],
    ['/Users/me/a.hoistday', macos, 'apfs'],
    ['/Volumes/the share/a.hoistday', macos, 'smbfs'],
    ['/Volumes/the sharer/a.hoistday', macos, 'apfs'],
  ])('%s', (path, table, type) => {
    expect(mountTypeOf(path, table)).toBe(type);
  });

  it.each(['\\\\server\\share\\a.hoistday', '\\\\?\\UNC\\server\\share\\a.hoistday'])(
    '%s is on the network',
    (path) => {
      expect(placeOf(path)).toBe('network');
    },
  );

  it.each([
    ['/home/me/My Cloud/cars', true],
    ['C:\\Users\\me\\FileDrive - Home\\cars', true],
    ['/Users/me/Library/Mobile Documents/x', true],
    ['/home/me/file sync', true],
    ['/home/me/gearbox/driveline/drives', false],
  ])('%s: synced %s', (path, synced) => {
    expect(looksSynced(path)).toBe(synced);
  });

  it('tells what to do about each', () => {
    const path = `${folder()}/a.hoistday`;
    expect(placeNotices(path, 'this-machine')).toEqual([]);
    expect(placeNotices(path, 'network')).toEqual([expect.stringContaining('one machine at a time')]);
    expect(placeNotices(path, 'synced')).toEqual([expect.stringContaining('Close the workbook before')]);
  });
});
