/** The views of the page, each with the hash address it answers to. A new view is one more entry. */
import type { ComponentType } from 'preact';
import { lazyView } from './lazy-view.tsx';
import { SiteView } from './site/site-view.tsx';
import type { ViewProps } from './view-props.ts';

export interface View {
  /** Address after the hash, such as "#/site". */
  readonly hash: string;
  readonly label: string;
  readonly Component: ComponentType<ViewProps>;
}

export const VIEWS: readonly [View, ...View[]] = [
  { hash: '#/site', label: 'One site', Component: SiteView },
  {
    hash: '#/area',
    label: 'A region',
    Component: lazyView(async () => (await import('./area/area-view.tsx')).AreaView),
  },
  {
    hash: '#/lesson',
    label: 'A lesson',
    Component: lazyView(async () => (await import('./lesson/lesson-view.tsx')).LessonView),
  },
];

/** The view at an address or below it; the first one, which opens links to sites, for any other. */
export function viewAt(hash: string): View {
  return VIEWS.find((view) => hash === view.hash || hash.startsWith(`${view.hash}/`)) ?? VIEWS[0];
}
