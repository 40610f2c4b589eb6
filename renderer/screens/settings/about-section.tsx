/** What this program is, and what to do when a workbook can't be read. */
export function AboutSection({ version }: { readonly version: string }) {
  return (
    <div className="settings-stack settings-prose">
      <p>
        Hoistday {version}. Free software under the MIT licence: use it, change it and pass it on; there is no warranty.
        It works on this machine alone and sends nothing anywhere.
      </p>
      <p>
        It stands on the work of others: among them SQLite (public domain), React, Mantine, Recharts and React Flow
        (MIT), the typeface Inter (OFL 1.1), and ELK, which lays the plumbing drawing out (EPL 2.0).
      </p>
      <p>
        Figures for work that can hurt are only as good as what was typed in. The vehicle and part makers' manuals
        govern, and local rules apply.
      </p>
      <h2>If a workbook is damaged or won't open</h2>
      <ol>
        <li>Close the program, and delete nothing.</li>
        <li>Copy the workbook, the files beside it with the same name, and the folder “Backups” to another disk.</li>
        <li>Open it again: what still lies in its journal is put into the file if a copy shows that this works.</li>
        <li>
          If it opens, use “Check it now” under Backups and checks. If something is wrong there, restore the newest
          backup marked whole: the damaged file is kept under another name.
        </li>
        <li>
          If it doesn't open, give it another name and put a copy of the newest file from “Backups” in its place, under
          the workbook's own name.
        </li>
      </ol>
      <h2>Keys</h2>
      <dl className="settings-keys">
        <dt>
          <kbd>Ctrl K</kbd>
        </dt>
        <dd>Search and go anywhere</dd>
        <dt>
          <kbd>Ctrl Z</kbd>
        </dt>
        <dd>Take the latest act back</dd>
        <dt>
          <kbd>Ctrl Shift Z</kbd>
        </dt>
        <dd>Do it again</dd>
        <dt>
          <kbd>Ctrl Enter</kbd>
        </dt>
        <dd>Send the form you are in</dd>
        <dt>
          <kbd>Esc</kbd>
        </dt>
        <dd>Close the topmost window</dd>
      </dl>
    </div>
  );
}
