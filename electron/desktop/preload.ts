import { contextBridge, type IpcRendererEvent, ipcRenderer } from 'electron';
import type { DesktopBridge, MenuVerb } from '../../renderer/app/desktop-bridge.ts';

/** Named verbs only: the page gets neither the channel nor the event that a choice in the menu came with. */
const bridge: DesktopBridge = {
  chooseWorkbookToOpen: () => ipcRenderer.invoke('choose-workbook-to-open'),
  chooseWorkbookToCreate: (suggestedName) => ipcRenderer.invoke('choose-workbook-to-create', String(suggestedName)),
  chooseBackupPlace: (suggestedName) => ipcRenderer.invoke('choose-backup-place', String(suggestedName)),
  showInFolder: () => ipcRenderer.invoke('show-in-folder'),
  openLink: (address) => ipcRenderer.invoke('open-link', String(address)),
  onMenu: (listener) => {
    const heard = (_event: IpcRendererEvent, verb: MenuVerb) => listener(verb);
    ipcRenderer.on('menu', heard);
    return () => {
      ipcRenderer.off('menu', heard);
    };
  },
};

contextBridge.exposeInMainWorld('hoistday', bridge);
