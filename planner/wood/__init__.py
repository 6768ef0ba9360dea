"""What is known of wood and of standing bodies: data with its sources, and the formulas of the handbooks."""
