import { allRules } from '../shared/rules/all-rules';
import type { PageHead } from '../shared/rules/page';

// Nothing but data leaves this file: the build puts it in as such, so that the rules themselves stay in the worker, and the rest
// of their pages with them.

/** What `allow` can name. */
export const allowablePages: readonly PageHead[] = allRules.map(({ page: { id, title, condition } }) => ({
    id,
    title,
    condition,
}));
