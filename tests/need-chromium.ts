/**
 * The journeys run in a real Chromium. Run before the tests: finds one, or installs Debian's where that can be done
 * without asking, or says what to do.
 */
import { spawnSync } from 'node:child_process';
import { chromiumPath } from './chromium-path.ts';

if (chromiumPath() === undefined) {
  const canInstall = process.platform === 'linux' && process.getuid?.() === 0;
  if (canInstall) {
    process.stdout.write('No Chromium here; installing the distribution’s …\n');
    spawnSync('apt-get', ['update', '-qq'], { stdio: 'inherit' });
    spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
  }
  if (chromiumPath() === undefined) {
    process.stderr.write(
      'The tests need Chromium. Install it (on Debian: apt-get install chromium) or set HOISTDAY_CHROMIUM to its path.\n',
    );
    process.exitCode = 1;
  }
}
