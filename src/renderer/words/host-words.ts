const GONE =
  'The workbench no longer answers. Everything that was shown as saved is in the job folder; ' +
  'open the workbench again to go on.'

/** What the window itself says of its host, and of scans on their way to it, in sentences. */
export const HOST_WORDS = {
  'host.gone': () => GONE,
  'host.not-understood': () =>
    'What the workbench answered could not be understood. Everything that was shown as saved is in the job folder; ' +
    'reload the window to see how things stand.',
  'host.too-large': () =>
    'This is more than the workbench takes at once, so nothing was done: do it in smaller parts.',
  'host.scan-lost': (p: { file: string }) => `"${p.file}" could not be brought in. ${GONE}`,
  'host.scan-did-not-arrive': (p: { file: string }) =>
    `"${p.file}" did not arrive, and nothing of it was kept: either the file was moved or changed, or the ` +
    'workbench no longer answers. Choose it again.',
  'host.scan-out-of-reach': (p: { file: string }) =>
    `"${p.file}" can't be read any more: it was moved, changed or locked. Choose it again.`,
  'host.scan-stopped': (p: { file: string }) => `"${p.file}" was not brought in; nothing of it was kept.`,
} as const
