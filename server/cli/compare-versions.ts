/** What `kerfbook diff` needs of the language and the files; apart, so that git can look while it is read. */
export { LocalAsker } from '../engine/asker';
export { openRevision } from '../git/open-revision';
export { reviewFile } from '../review/review-files';
export { openFile, openWorkTree } from './version-source';
