// A second copy of the script, as where two parts of a page bring their own.
import './leadline.js?again'
