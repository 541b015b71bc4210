"""Jobs: the services that the shop sells, and the cars that are booked for them."""
