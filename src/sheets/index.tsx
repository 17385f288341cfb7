/** What is printed: the reading room, and every paper in it. */
import './room/room.css';
import './page/page.css';

export { ReadingRoom as default } from './room/reading-room';
