/** Stands alone so that the packing of links becomes a file of its own, fetched when somebody makes or opens one. */
export { siteLinkFragment, siteOfLink } from '../../model/index.ts';
