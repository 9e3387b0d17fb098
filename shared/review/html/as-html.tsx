import { renderToString } from 'preact-render-to-string';
import type { ReviewPictures } from '../film-strip';
import { headOf, inOrder, nameOf } from '../head';
import { consequenceWords } from '../head-words';
import { oneLine } from '../one-line';
import type { ReviewPlaces } from '../places';
import type { Review } from '../review';
import { withoutNoise } from '../without-noise';
import { headline } from '../wording';
import { worstOf } from '../worst';
import { Art } from './art';
import { Changes } from './changes';
import { Film } from './film';
import { articleId, Head } from './head';
import { type Links, LinksHere, ToPlace } from './links';
import { page } from './page';
import { Definitions } from './paths';
import { Spoken } from './spoken';

export interface PicturedReview {
    readonly review: Review;
    readonly places?: ReviewPlaces;
    readonly pictures?: ReviewPictures;
}

/**
 * Reviews as one page to open, print or attach: what is worst, with an index where there are several; of each recipe the art laid over itself and
 * both film strips, then the changes in words.
 * @param untouched names of recipes that the change does not reach
 */
export function reviewHtml(reviews: readonly PicturedReview[], untouched: readonly string[] = []): string {
    const names = reviews.map(({ review }) => nameOf(review));
    const title = names.length > mostNames ? `${names.length} recipes` : names.join(', ');
    return page(title === '' ? 'Review' : `${title}, review`, reviewBody(reviews, undefined, untouched));
}

/** More names than these are no title. */
const mostNames = 4;

/** What stands in the page, for one that is shown elsewhere. */
export function reviewBody(all: readonly PicturedReview[], links?: Links, untouched: readonly string[] = []): string {
    const told = all.map((each) => ({ ...each, review: withoutNoise(each.review) }));
    const paths = Object.assign({}, ...told.map(({ pictures }) => pictures?.paths ?? {})) as Record<string, string>;
    const reviews = told.map(({ review }) => review);
    const head = headOf(reviews, untouched);
    // Whoever looks at one file in the editor looks for each of its recipes.
    const quiet = links === undefined ? [] : reviews.filter(({ same }) => same);
    const shown = told.length > 1 ? [...inOrder(head, reviews), ...quiet] : reviews;
    return renderToString(
        <LinksHere.Provider value={links}>
            <Definitions paths={paths} />
            {told.length === 0 && <p>No recipe differs.</p>}
            {told.length > 1 && <Head head={head} reviews={reviews} />}
            {shown.map((review) => {
                const index = reviews.findIndex(
                    (each) => nameOf(each) === nameOf(review) && each.after.from === review.after.from,
                );
                return <Article key={String(index)} id={articleId(index)} {...told[index]!} review={review} />;
            })}
        </LinksHere.Provider>,
    );
}

function Article({ review, places, pictures, id }: PicturedReview & { readonly id: string }) {
    const { before, after } = review;
    return (
        <article id={id}>
            <h1>
                <ToPlace where={places?.recipe}>
                    {oneLine(after.title || before.title || after.recipe || before.recipe || '')}
                </ToPlace>
            </h1>
            <p class="from">{headline(review)}</p>
            {review.same && <p>Nothing that matters differs.</p>}
            {!review.same && <WorstFirst review={review} />}
            {!review.same && pictures !== undefined && (
                <>
                    {pictures.art.length > 0 && <h2>The art, laid over itself</h2>}
                    {pictures.art.map((picture) => (
                        <Art key={picture.review.name} picture={picture} />
                    ))}
                    <h2>The piece, step by step</h2>
                    <Film pictures={pictures} />
                </>
            )}
            {!review.same && (
                <>
                    <h2>What changed</h2>
                    <Changes review={review} {...(places !== undefined && { places })} />
                </>
            )}
        </article>
    );
}

function WorstFirst({ review }: { review: Review }) {
    const { shown, more } = worstOf(review);
    if (shown.length === 0) return null;
    return (
        <ul>
            {shown.map((each, index) => (
                <li key={String(index)}>
                    <strong class={each.kind}>{each.kind}</strong> <Spoken text={consequenceWords(each, review)} />
                </li>
            ))}
            {more > 0 && <li>and {more} more</li>}
        </ul>
    );
}
