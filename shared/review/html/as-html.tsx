import { renderToString } from 'preact-render-to-string';
import type { ReviewPictures } from '../film-strip';
import { oneLine } from '../one-line';
import type { ReviewPlaces } from '../places';
import type { Review } from '../review';
import { headline } from '../wording';
import { Art } from './art';
import { Changes } from './changes';
import { Film } from './film';
import { type Links, LinksHere, ToPlace } from './links';
import { page } from './page';
import { Definitions } from './paths';

export interface PicturedReview {
    readonly review: Review;
    readonly places?: ReviewPlaces;
    readonly pictures?: ReviewPictures;
}

/** Reviews as one page to open, print or attach: the changes in words, the art laid over itself, both film strips. */
export function reviewHtml(reviews: readonly PicturedReview[]): string {
    const title = reviews.map(({ review }) => review.after.recipe ?? review.before.recipe ?? '').join(', ');
    return page(title === '' ? 'Review' : `${title}, review`, reviewBody(reviews));
}

/** What stands in the page, for one that is shown elsewhere. */
export function reviewBody(reviews: readonly PicturedReview[], links?: Links): string {
    const paths = Object.assign({}, ...reviews.map(({ pictures }) => pictures?.paths ?? {})) as Record<string, string>;
    return renderToString(
        <LinksHere.Provider value={links}>
            <Definitions paths={paths} />
            {reviews.length === 0 && <p>No recipe differs.</p>}
            {reviews.map((each, index) => (
                <Article key={String(index)} {...each} />
            ))}
        </LinksHere.Provider>,
    );
}

function Article({ review, places, pictures }: PicturedReview) {
    const { before, after } = review;
    return (
        <article>
            <h1>
                <ToPlace where={places?.recipe}>
                    {oneLine(after.title || before.title || after.recipe || before.recipe || '')}
                </ToPlace>
            </h1>
            <p class="from">{headline(review)}</p>
            {review.same && <p>Nothing that matters differs.</p>}
            {!review.same && (
                <>
                    <h2>What changed</h2>
                    <Changes review={review} {...(places !== undefined && { places })} />
                </>
            )}
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
        </article>
    );
}
