/** Whether the operating system refused something: a full disk, a folder that is not ours. */
export function isRefusal(error: unknown): error is NodeJS.ErrnoException {
  return error instanceof Error && 'syscall' in error && 'code' in error;
}

/** What the operating system refused, and the mend, in plain words; in its own where it is nothing usual. */
export function refusalWords({ code, syscall, path, message }: NodeJS.ErrnoException): string {
  const what = path ?? 'the file';
  switch (code) {
    case 'ENOSPC':
    case 'EDQUOT':
      return `the disk is full${path ? `, and ${path} cannot be written` : ''}; make room and run it again`;
    case 'EROFS':
      return `${what} cannot be written, since its disk is read-only; choose another folder with --out`;
    case 'EACCES':
    case 'EPERM':
      return `${what} may not be opened or changed by you; ask for the right to it, or choose another folder`;
    case 'ENOENT':
      // What Node says where the folder above is on a read-only disk, too.
      return syscall === 'mkdir' ? `the folder ${what} cannot be made; choose another place` : message;
    default:
      return message;
  }
}
