// The page of tins.
import { glance } from "./glance.js";

glance();
