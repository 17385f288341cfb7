/** In a file of its own, so that it can be fetched when it is asked for. */
export { createImageStudy } from '../../geometry';
