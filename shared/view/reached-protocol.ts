import * as v from 'valibot';
import { address, count } from './shapes';

/** What is written behind the depth of an engraving that was measured before its last passes. */
export const reachedParams = v.object({
    uri: address,
    /** Within the depth that is asked for. */
    offset: count,
    /** As it was typed, such as `0.31 mm`. */
    depth: v.string(),
    /** After how many. */
    passes: count,
});
