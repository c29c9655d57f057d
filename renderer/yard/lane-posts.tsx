import { POST_WIDTH, postSegments, type PlacedPost } from './post-layout.ts';
import type { LaneLayout } from './lane-layout.ts';
import type { PostDrag } from './use-post-drag.ts';
import styles from './posts.module.css';

interface LanePostsProps {
  readonly car: string;
  readonly posts: readonly PlacedPost[];
  readonly layout: LaneLayout;
  readonly height: number;
  readonly above: number;
  readonly drag: PostDrag;
}

/** The posts as they go through a lane, between its marks: hollow where the car is in the session, a thin line where it is not. For the eye: the band below names them. */
export function LanePosts({ car, posts, layout, height, above, drag }: LanePostsProps) {
  return (
    <div aria-hidden="true">
      {posts.flatMap(({ post, x }) => {
        const within = post.session.cars.includes(car);
        return postSegments(layout.placed, x, { height, above }).map(({ from, to }) => (
          <div
            key={`${post.session.id} ${from}`}
            className={within ? styles.post : styles.thread}
            data-kept={post.kept}
            data-lifted={post.lifted}
            style={{ transform: `translate(${x - POST_WIDTH / 2}px, ${from}px)`, width: POST_WIDTH, height: to - from }}
            onPointerDown={(event) => drag.begin(post.session, event)}
          />
        ));
      })}
    </div>
  );
}
