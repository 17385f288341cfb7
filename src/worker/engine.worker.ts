import { expose } from 'comlink';
import { createEngineService } from './service';

expose(createEngineService());
