import { textPages } from './pages';

// Nothing but data leaves this file: the build puts it in as such, so that the pages stay in the worker.

/** The rules of the text, none of which can be allowed. */
export const textRuleIds: readonly string[] = textPages.map(({ id }) => id);
