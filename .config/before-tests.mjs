import { makeWhatIsStale } from './generated.mjs';

/** Before any test: a fresh clone has no parser yet, and bundles may be older than the sources. */
export default function beforeTests() {
    return makeWhatIsStale({ bundles: process.env.KERFBOOK_BUNDLES !== 'no' });
}
