/** What a window says when nothing answers it any more. */
export const GONE =
  'The workbench no longer answers. Everything that was shown as saved is in the job folder; ' +
  'open the workbench again to go on.'
