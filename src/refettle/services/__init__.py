"""What a person does with the product, one module each."""
